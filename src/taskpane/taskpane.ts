void Office.onReady();
